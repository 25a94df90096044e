"""The second schema: charts among the entries, erasures and sweeps, ids that are never given again.

Rows could not be removed until now, so the highest id was always taken. After an erasure it would be free,
and an old version of a style that names the body would have meant another body.
"""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"

_NEVER_AGAIN = {"sqlite_autoincrement": True}


def upgrade() -> None:
    """Copy the tables whose rules change, and make the new ones."""
    with op.batch_alter_table("entries", recreate="always", table_kwargs=_NEVER_AGAIN) as table:
        table.drop_constraint(op.f("ck_entries_kind"), type_="check")
        table.create_check_constraint(
            op.f("ck_entries_kind"), "kind IN ('style', 'block', 'measures', 'chart')"
        )
    for name in ("documents", "revisions"):
        with op.batch_alter_table(name, recreate="always", table_kwargs=_NEVER_AGAIN):
            pass  # only the ids change their rule
    op.create_table(
        "erasures",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(8), nullable=False),
        sa.Column("series", sa.String(6), nullable=False),
        sa.Column("serial", sa.Integer(), nullable=False),
        sa.Column("actor", sa.String(200), nullable=False),
        sa.Column("at", sa.String(27), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_erasures"),
        sa.UniqueConstraint("series", "serial", name="uq_erasures_series_serial"),
        sqlite_autoincrement=True,
    )
    op.create_table(
        "sweeps",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("copies", sa.Text(), nullable=False),
        sa.Column("marks", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_sweeps"),
    )
