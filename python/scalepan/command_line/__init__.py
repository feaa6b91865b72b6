"""The command line: ``scalepan scale | buy | cost | curve | why | convert | measure | yield``."""
