import type { Spares } from '../../lib/analysis/demand/types';
import { counted } from '../words/counted';

/** What the plan, the stock or a group lacks; the rest was computed without it. */
export function PlanMessages({ messages }: Pick<Spares, 'messages'>) {
  if (messages.length === 0) return null;
  return (
    <details open={messages.length <= 5}>
      <summary>
        {counted(messages.length, 'thing is', 'things are')} lacking; the rest was computed without
      </summary>
      <ul>
        {messages.map(({ about, name, text }) => (
          <li key={`${about} ${name} ${text}`}>
            {name}: {text}
          </li>
        ))}
      </ul>
    </details>
  );
}
