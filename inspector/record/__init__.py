"""What was recorded: entries, the journal that keeps them, the state folded from them, photos, bundles and the catalogue."""
