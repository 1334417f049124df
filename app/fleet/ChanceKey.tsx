import { symbols } from '../../lib/charts/symbols';
import { chanceStepLabels } from '../../lib/charts/theme';
import styles from './fleet.module.css';

const hatchStrokes = [-6, -2, 2, 6];

/** The key to the strips: steps of ink, the tick of an overhaul, the end of the rated life, hatching. */
export function ChanceKey() {
  return (
    <ul className={styles.key} aria-label="Key">
      {chanceStepLabels.map((label, step) => (
        <li key={label}>
          <svg viewBox="0 0 24 14" aria-hidden="true">
            <rect
              x="0.5"
              y="2.5"
              width="23"
              height="9"
              fill={`var(--chance-${step})`}
              stroke="var(--rule-faint)"
            />
          </svg>
          {label}
        </li>
      ))}
      <li>
        <svg viewBox="0 0 24 14" aria-hidden="true">
          <path d="M12,1V13" stroke="var(--ink)" strokeWidth="2" />
        </svg>
        planned overhaul
      </li>
      <li>
        <svg viewBox="-12 -7 24 14" aria-hidden="true">
          <path
            d={symbols.ratedLife}
            transform="scale(6)"
            stroke="var(--ink)"
            strokeWidth="0.4"
            fill="none"
          />
        </svg>
        rated life ends
      </li>
      <li>
        <svg viewBox="-12 -7 24 14" aria-hidden="true">
          {hatchStrokes.map((x) => (
            <path
              key={x}
              d={symbols.hatch}
              transform={`translate(${x} 0) scale(4)`}
              stroke="var(--muted)"
              strokeWidth="0.25"
            />
          ))}
        </svg>
        no forecast
      </li>
    </ul>
  );
}
