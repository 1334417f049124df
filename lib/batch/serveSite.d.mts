/** A site that is being served. */
export interface ServedSite {
  readonly url: string;
  readonly port: number;
  close(): Promise<void>;
}

export function serveSite(options: {
  readonly root: string;
  readonly port?: number;
  readonly host?: string;
}): Promise<ServedSite>;
