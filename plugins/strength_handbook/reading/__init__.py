"""From the files a coach writes to plain data with positions.

Bytes go in; dictionaries, lists, texts and numbers come out, together with a table that says at
which line and column each of them stands. The story in order:

- `raw_text` turns bytes into text, or says why the file is no readable text;
- `yaml_source` turns text into a `Source` (`source`): plain data and the table of positions. It
  hands a parser's events to `yaml_build`, which takes unquoted words by the rules of `yaml_scalar`;
- `yaml_syntax` puts the parser's complaint (`yaml_complaint`) into words that say what to write;
- `files` finds the files of a folder and says what each describes;
- `doses` puts doses written in one line (`notation`, by the table in `dose`) into their long form;
- `shape` makes typed models of the data; it finds places with `keys` and words with `wording`;
- `references` checks that everything named is there, and `fit` that it goes together, over all that
  is `written`;
- `book` does all of this in order and makes one book of a folder, or none;
- `suggest` finds the word that was probably meant;
- `problem` is what every reader reports: file, line, column and what to do.

Nothing here raises because of what a file contains. A mistake becomes a `Problem`, reading goes on
as long as it makes sense, and a coach sees all of a file's problems at once.
"""
