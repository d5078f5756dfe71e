"""What the engine has to say, as facts: ids with arguments. The sentences are in words/LANGUAGE."""
