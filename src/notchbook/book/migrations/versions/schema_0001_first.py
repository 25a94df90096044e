"""The first schema: contents, entries, documents, events, revisions."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision: str | None = None

_HASH = sa.String(64)
_TIME = sa.String(27)


def upgrade() -> None:
    """Make the tables."""
    _contents()
    _entries()
    _documents()
    _events()
    _revisions()
    _revision_blocks()


def _contents() -> None:
    op.create_table(
        "contents",
        sa.Column("hash", _HASH, nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("hash", name="pk_contents"),
    )


def _entries() -> None:
    op.create_table(
        "entries",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(8), nullable=False),
        sa.Column("series", sa.String(6), nullable=False),
        sa.Column("serial", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("status", sa.String(8), nullable=False),
        sa.Column("search_text", sa.Text(), nullable=False),
        sa.Column("created_at", _TIME, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_entries"),
        sa.UniqueConstraint("series", "serial", name="uq_entries_series_serial"),
        sa.CheckConstraint("kind IN ('style', 'block', 'measures')", name=op.f("ck_entries_kind")),
        sa.CheckConstraint("status IN ('working', 'approved', 'retired')", name=op.f("ck_entries_status")),
    )


def _documents() -> None:
    op.create_table(
        "documents",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("state", sa.Integer(), nullable=False),
        sa.Column("content_hash", _HASH, nullable=False),
        sa.Column("changed_at", _TIME, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_documents"),
        sa.UniqueConstraint("entry_id", name="uq_documents_entry_id"),
        sa.ForeignKeyConstraint(["entry_id"], ["entries.id"], name="fk_documents_entry_id"),
        sa.ForeignKeyConstraint(["content_hash"], ["contents.hash"], name="fk_documents_content_hash"),
    )


def _events() -> None:
    op.create_table(
        "events",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("document_id", sa.Integer(), nullable=False),
        sa.Column("version_before", sa.Integer(), nullable=False),
        sa.Column("version_after", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(60), nullable=False),
        sa.Column("actor", sa.String(200), nullable=False),
        sa.Column("at", _TIME, nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("what", sa.Text(), nullable=False),
        sa.Column("content_hash", _HASH, nullable=False),
        sa.Column("state_before", sa.Integer(), nullable=True),
        sa.Column("state", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_events"),
        sa.UniqueConstraint("document_id", "version_after", name="uq_events_document_id_version_after"),
        sa.CheckConstraint("version_after = version_before + 1", name=op.f("ck_events_one_version")),
        sa.ForeignKeyConstraint(["document_id"], ["documents.id"], name="fk_events_document_id"),
        sa.ForeignKeyConstraint(["content_hash"], ["contents.hash"], name="fk_events_content_hash"),
        sqlite_autoincrement=True,
    )


def _revisions() -> None:
    op.create_table(
        "revisions",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("document_id", sa.Integer(), nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("hash", _HASH, nullable=False),
        sa.Column("document_version", sa.Integer(), nullable=False),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("frozen_by", sa.String(200), nullable=False),
        sa.Column("frozen_at", _TIME, nullable=False),
        sa.Column("approved_by", sa.String(200), nullable=True),
        sa.Column("approved_at", _TIME, nullable=True),
        sa.Column("content_hash", _HASH, nullable=False),
        sa.Column("measures_hash", _HASH, nullable=True),
        sa.Column("geometry_hash", _HASH, nullable=True),
        sa.Column("step_versions", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_revisions"),
        sa.UniqueConstraint("document_id", "revision", name="uq_revisions_document_id_revision"),
        sa.UniqueConstraint("document_id", "hash", name="uq_revisions_document_id_hash"),
        sa.CheckConstraint(
            "(approved_at IS NULL) = (approved_by IS NULL)", name=op.f("ck_revisions_approval_whole")
        ),
        sa.ForeignKeyConstraint(["document_id"], ["documents.id"], name="fk_revisions_document_id"),
        sa.ForeignKeyConstraint(["content_hash"], ["contents.hash"], name="fk_revisions_content_hash"),
        sa.ForeignKeyConstraint(["measures_hash"], ["contents.hash"], name="fk_revisions_measures_hash"),
        sa.ForeignKeyConstraint(["geometry_hash"], ["contents.hash"], name="fk_revisions_geometry_hash"),
    )
    op.create_index("ix_revisions_hash", "revisions", ["hash"])


def _revision_blocks() -> None:
    op.create_table(
        "revision_blocks",
        sa.Column("revision_id", sa.Integer(), nullable=False),
        sa.Column("block_hash", _HASH, nullable=False),
        sa.PrimaryKeyConstraint("revision_id", "block_hash", name="pk_revision_blocks"),
        sa.ForeignKeyConstraint(["revision_id"], ["revisions.id"], name="fk_revision_blocks_revision_id"),
    )
    op.create_index("ix_revision_blocks_block_hash", "revision_blocks", ["block_hash"])
