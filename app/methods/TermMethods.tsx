import { termId, termNames, terms } from '../words/terms';

/** Every term with its meaning, and the way to the paragraph that says more. */
export function TermMethods() {
  return (
    <>
      <h2 id="words">Words</h2>
      <p>
        Pages, files and papers use these words in one sense only. Wherever one is dotted or has a question
        mark beside it, it says so itself.
      </p>
      <dl>
        {termNames.map((name) => {
          const { word, says, methods } = terms[name];
          return (
            <div key={name} id={termId(name)}>
              <dt>
                <b>{word}</b>
              </dt>
              <dd>
                {says} {methods !== null && <a href={`#${methods}`}>More on ‘{word}’</a>}
              </dd>
            </div>
          );
        })}
      </dl>
    </>
  );
}
