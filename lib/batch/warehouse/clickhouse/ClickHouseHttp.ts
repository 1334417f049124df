import { type IncomingMessage, request } from 'node:http';
import { WarehouseError } from '../Warehouse';
import { type ClickHouseSettings, passwordVariable } from '../warehouseSettings';
import { linesOf } from './linesOf';
import { textOfTabCell } from './literals';

/**
 * Settings of every request. A shard that cannot be reached is an error, never fewer rows; the answer is sent when it is complete,
 * so that an error of any shard comes as an error of the request and not in the middle of rows.
 */
const requestSettings = {
  skip_unavailable_shards: '0',
  wait_end_of_query: '1',
  buffer_size: String(1 << 20),
  max_query_size: String(1 << 26),
  max_ast_elements: '1000000',
  max_expanded_ast_elements: '5000000',
  insert_distributed_sync: '1',
  output_format_json_quote_64bit_integers: '0',
} as const;

const longestReason = 500;

/** Speaks with one server by its HTTP interface; errors say what happened and what to do. */
export class ClickHouseHttp {
  readonly name: string;
  private readonly url: URL;
  private readonly headers: Readonly<Record<string, string>>;

  constructor({ host, port, database, user }: ClickHouseSettings, password: string | undefined) {
    this.name = `the ClickHouse warehouse ${database} at ${host}:${port}`;
    this.url = new URL(`http://${host}:${port}/`);
    for (const [name, value] of Object.entries({ ...requestSettings, database }))
      this.url.searchParams.set(name, value);
    this.headers = {
      'X-ClickHouse-User': user,
      ...(password === undefined ? {} : { 'X-ClickHouse-Key': password }),
    };
  }

  /** Runs a statement without a result; an INSERT takes its rows from `body`. */
  async run(statement: string, body?: Buffer): Promise<void> {
    const url = new URL(this.url);
    if (body !== undefined) url.searchParams.set('query', statement);
    await textOf(await this.post(url, body ?? statement));
  }

  /** Rows of a question, as texts, as they come in. */
  async *rows(question: string): AsyncGenerator<readonly string[]> {
    const response = await this.post(this.url, `${question} FORMAT TabSeparated`);
    try {
      for await (const line of linesOf(response)) yield line.split('\t').map(textOfTabCell);
    } catch (error) {
      throw this.unanswered(error);
    }
  }

  private async post(url: URL, body: string | Buffer): Promise<IncomingMessage> {
    let response: IncomingMessage;
    try {
      response = await sent(url, this.headers, body);
    } catch (error) {
      throw this.unanswered(error);
    }
    if (response.statusCode === 200 && response.headers['x-clickhouse-exception-code'] === undefined)
      return response;
    const text = (await textOf(response)).trim().slice(0, longestReason);
    const help = /^Code: 19[234]\b/.test(text)
      ? `check the user, and the password in the environment variable ${passwordVariable}`
      : 'see that every shard runs, then start again';
    throw new WarehouseError(
      `${this.name} gave no full answer (${text || `status ${response.statusCode}`}): ${help}`,
    );
  }

  private unanswered(error: unknown): WarehouseError {
    const reason = error instanceof Error ? error.message || String(error) : String(error);
    return new WarehouseError(
      `${this.name} stopped answering (${reason}): see that it runs, then start again`,
    );
  }
}

/** A connection a request: the server ends one that is idle for seconds, and a request sent just then would be lost. */
function sent(
  url: URL,
  headers: Readonly<Record<string, string>>,
  body: string | Buffer,
): Promise<IncomingMessage> {
  return new Promise((resolve, reject) => {
    const asked = request(url, { method: 'POST', headers: { ...headers }, agent: false }, resolve);
    asked.on('error', reject);
    asked.end(body);
  });
}

async function textOf(response: IncomingMessage): Promise<string> {
  const lines: string[] = [];
  for await (const line of linesOf(response)) lines.push(line);
  return lines.join('\n');
}
