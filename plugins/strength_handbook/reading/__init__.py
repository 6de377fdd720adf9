"""From the files a coach writes to plain data with positions.

Bytes go in; dictionaries, lists, texts and numbers come out, together with a table that says at
which line and column each of them stands. The story in order:

- `raw_text` turns bytes into text, or says why the file is no readable text;
- `yaml_source` turns text into a `Source`: plain data plus the table of positions;
- `yaml_syntax` puts a parser's complaint into words that say what to write instead;
- `suggest` finds the word that was probably meant;
- `problem` is what every reader reports: file, line, column and what to do.

Nothing here raises because of what a file contains. A mistake becomes a `Problem`, reading goes on
as long as it makes sense, and a coach sees all of a file's problems at once.
"""
