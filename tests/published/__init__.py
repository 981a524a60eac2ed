"""What others have published, and whether ours agrees: one file a source, each figure beside its citation."""
