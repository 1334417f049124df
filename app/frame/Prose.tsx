/** Words with a hyphen that must not break across lines: with a digit, such as dates and serials, or in capitals, such as codes of parts. */
const unbroken = /(\S*-\S*\d\S*|\S*\d\S*-\S*|\b[A-Z]+-[A-Z]+\b)/;

/** Sentences in which dates and serials stay on one line. */
export function Prose({ text }: { readonly text: string }) {
  let start = 0;
  return text.split(unbroken).map((part, index) => {
    const key = start;
    start += part.length;
    return index % 2 === 1 ? (
      <span key={key} className="unbroken">
        {part}
      </span>
    ) : (
      part
    );
  });
}
