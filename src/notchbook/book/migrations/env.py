"""How migrations are run: on the connection, and in the transaction, that we are given."""

from alembic import context

from notchbook.book.models import Base

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Base.metadata,
    # SQLite changes a table by copying it.
    render_as_batch=True,
)
context.run_migrations()
