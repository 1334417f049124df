import { group } from 'd3-array';
import type { Spares } from '../../lib/analysis/demand/types';
import { rewritten } from '../../lib/charts/rewritten';
import { counted } from '../words/counted';
import { namesWords } from '../words/namesWords';

/** Names that share a message; the others are counted. */
const mostNames = 12;
const mostOpen = 5;

/** What the plan, the stock or a group lacks, said once for all that it is true of; the rest was computed without it. */
export function PlanMessages({ messages }: Pick<Spares, 'messages'>) {
  if (messages.length === 0) return null;
  const said = [...group(messages, ({ text }) => text)];
  return (
    <details open={said.length <= mostOpen}>
      <summary>
        {counted(messages.length, 'thing is', 'things are')} lacking; the rest was computed without
      </summary>
      <ul>
        {said.map(([text, own]) => (
          <li key={text}>
            {namesWords(
              own.map(({ name }) => name),
              mostNames,
            )}
            : {rewritten(text)}
          </li>
        ))}
      </ul>
    </details>
  );
}
