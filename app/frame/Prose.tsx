/** Words with a hyphen and a digit, such as dates and serials, which must not break across lines. */
const unbroken = /(\S*-\S*\d\S*|\S*\d\S*-\S*)/;

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
