import type { LimitSide } from '../../stats/wear/types';
import type { LimitInForce } from '../../store/questions';
import type { MarginQuestion } from '../currentLine';
import type { PartStock } from './partStocks';

/** What starts a new run of a series. */
export interface SeriesRule {
  readonly characteristic: string;
  /** Parts that renew the series. */
  readonly parts: readonly string[];
  /** The run goes on over overhauls until such a part is fitted; otherwise every assembly starts a new one. */
  readonly byPart: boolean;
}

/** One limited series of a unit with what renews it. */
export interface SeriesPlan extends SeriesRule {
  readonly series: string;
  readonly question: MarginQuestion & { readonly limit: LimitInForce };
  readonly side: LimitSide;
  readonly limit_mm: number;
  /**
   * The part counted when the series must be renewed; null: corrected at assembly, or nothing in limits.csv and parts.csv
   * renews it. A part of an assembly-reset series is wanted only when the series is found past its limit.
   */
  readonly partToFit: string | null;
}

/** The limited series of one unit; series without a limit have no verdict and no demand. */
export function seriesPlans(
  questions: readonly MarginQuestion[],
  ruleOf: ReadonlyMap<string, SeriesRule>,
  parts: readonly PartStock[],
): readonly SeriesPlan[] {
  const held = new Set(parts.map((part) => part.part));
  return questions.flatMap((question) => {
    const { limit } = question;
    if (limit === null) return [];
    const rule = ruleOf.get(`${question.unit.row.frame}\u0000${question.series}`);
    const {
      characteristic,
      parts: codes,
      byPart,
    } = rule ?? { characteristic: question.series, parts: [], byPart: false };
    return [
      {
        series: question.series,
        question: { ...question, limit },
        characteristic,
        parts: codes,
        byPart,
        side: limit.limit_kind,
        limit_mm: limit.limit_mm,
        partToFit: codes.find((code) => held.has(code)) ?? codes[0] ?? null,
      },
    ];
  });
}
