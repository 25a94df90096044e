"""What the steps on darts share: where a dart opens, how short of its pivot it ends, how it is pressed."""
