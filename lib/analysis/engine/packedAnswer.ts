import { transfer } from 'comlink';
import type { FleetQuestion } from './FleetQuestions';
import { buffersOf, type PackedRows, viewMaker } from './packedRows';
import { haveOneShape, packRows } from './packRows';

/**
 * Lists of rows in answers of which a page shows a few at a time, by their names; 'answer' is the answer itself. An engine a fleet
 * has thousands of rows, and as objects they hold up the thread that takes them over.
 */
const longLists: Readonly<Partial<Record<FleetQuestion, readonly string[]>>> = {
  decisions: ['answer'],
  charts: ['answer'],
  sisters: ['rows', 'startRows', 'units', 'limits'],
  spares: ['exceedances'],
  report: ['units', 'margins', 'decisions', 'exceedances'],
};

interface PackedAnswer {
  readonly packedAnswer: unknown;
  /** The lists in it by their names, those of one name one after another. */
  readonly packedLists: Readonly<Record<string, PackedList | readonly unknown[]>>;
}

/** Rows by their shapes: of which shape each row is, and the rows of each shape. */
interface PackedList {
  readonly shapeOf: Uint8Array;
  readonly packedList: readonly PackedRows[];
}

/** Where a list lies among those of its name. */
interface ListPlace {
  readonly listOf: string;
  readonly from: number;
  readonly to: number;
}

/** Rows of more shapes are no list to be gone through by column. */
const mostShapes = 4;

/**
 * The answer to a question as it goes to the page: its long lists by column, their memory handed over. Lists of one name are packed
 * as one: a thousand groups with a list each would be some ten thousand columns to take over.
 */
export function packAnswer(question: unknown, answer: unknown): unknown {
  const names = Object.hasOwn(longLists, String(question)) ? longLists[question as FleetQuestion] : undefined;
  if (names === undefined) return answer;
  const rows = new Map<string, unknown[]>();
  const gather = (value: unknown, name: string): unknown => {
    if (isPlain(value))
      return Object.fromEntries(Object.entries(value).map(([one, inside]) => [one, gather(inside, one)]));
    if (!Array.isArray(value)) return value;
    if (!names.includes(name)) return value.map((one) => gather(one, ''));
    const known = rows.get(name) ?? [];
    rows.set(name, known);
    const from = known.length;
    for (const row of value) known.push(row);
    return { listOf: name, from, to: known.length } satisfies ListPlace;
  };
  const packedAnswer = gather(answer, 'answer');
  const packedLists = Object.fromEntries([...rows].map(([name, list]) => [name, packList(list) ?? list]));
  const buffers = Object.values(packedLists).flatMap((list) =>
    'packedList' in list ? list.packedList.flatMap(buffersOf) : [],
  );
  return transfer({ packedAnswer, packedLists } satisfies PackedAnswer, buffers);
}

function packList(rows: readonly unknown[]): PackedList | null {
  const shapes = new Map<string, object[]>();
  const shapeOf = new Uint8Array(rows.length);
  for (const [place, row] of rows.entries()) {
    if (typeof row !== 'object' || row === null) return null;
    const name = Object.keys(row).join(' ');
    if (!shapes.has(name)) shapes.set(name, []);
    shapes.get(name)?.push(row);
    shapeOf[place] = [...shapes.keys()].indexOf(name);
    if (shapes.size > mostShapes) return null;
  }
  const lists = [...shapes.values()];
  return lists.every(haveOneShape) ? { shapeOf, packedList: lists.map(packRows) } : null;
}

/**
 * The answer as it was packed; rows of its long lists are views, see viewMaker. Those inside an object are made when they are first
 * asked for: of an answer about many series one is shown.
 */
export function unpackAnswer(answer: unknown): unknown {
  if (!isPlain(answer) || !('packedLists' in answer)) return answer;
  const { packedAnswer, packedLists } = answer as unknown as PackedAnswer;
  const rowsOf = new Map(Object.entries(packedLists).map(([name, list]) => [name, rowsBetween(list)]));
  const listAt = ({ listOf, from, to }: ListPlace) => rowsOf.get(listOf)?.(from, to) ?? [];
  const unpacked = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(unpacked);
    if (!isPlain(value)) return value;
    if (isPlace(value)) return listAt(value);
    const made: Record<string, unknown> = {};
    for (const [name, one] of Object.entries(value)) {
      if (isPlain(one) && isPlace(one)) defineOnce(made, name, () => listAt(one));
      else made[name] = unpacked(one);
    }
    return made;
  };
  return unpacked(packedAnswer);
}

/** Makes the rows of a list from one place up to another. */
function rowsBetween(
  list: PackedList | readonly unknown[],
): (from: number, to: number) => readonly unknown[] {
  if (!('packedList' in list)) return (from, to) => list.slice(from, to);
  const viewOf = list.packedList.map((rows) => viewMaker(rows));
  const next = list.packedList.map(() => 0);
  const lineOf = Uint32Array.from(list.shapeOf, (shape) => {
    const line = next[shape] as number;
    next[shape] = line + 1;
    return line;
  });
  return (from, to) =>
    Array.from({ length: to - from }, (_, k) =>
      viewOf[list.shapeOf[from + k] as number]?.(lineOf[from + k] as number),
    );
}

/** A property whose value is made when it is first asked for. */
function defineOnce(owner: object, name: string, make: () => unknown): void {
  let made: { readonly value: unknown } | null = null;
  const get = () => {
    made ??= { value: make() };
    return made.value;
  };
  Object.defineProperty(owner, name, { enumerable: true, get });
}

type Plain = Readonly<Record<string, unknown>>;

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}

function isPlace(value: Plain): value is Plain & ListPlace {
  return 'listOf' in value;
}
