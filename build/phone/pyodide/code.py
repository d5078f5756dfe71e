"""In the place of Pyodide's, which runs text as Python: nothing here does."""
