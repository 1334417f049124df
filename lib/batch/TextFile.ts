import { createWriteStream } from 'node:fs';
import { finished } from 'node:stream/promises';

const piece_characters = 1 << 20;

/** Writes a text piece by piece, waiting where the disk is slower, so that a file of any length takes little memory. */
export class TextFile {
  private readonly stream;
  private pieces: string[] = [];
  private length = 0;

  constructor(path: string) {
    this.stream = createWriteStream(path);
  }

  async add(text: string): Promise<void> {
    this.pieces.push(text);
    this.length += text.length;
    if (this.length >= piece_characters) await this.flush();
  }

  line(text: string): Promise<void> {
    return this.add(`${text}\n`);
  }

  async end(): Promise<void> {
    await this.flush();
    this.stream.end();
    await finished(this.stream);
  }

  private async flush(): Promise<void> {
    if (this.length === 0) return;
    const isTaken = this.stream.write(this.pieces.join(''));
    this.pieces = [];
    this.length = 0;
    if (!isTaken) await new Promise<void>((resolve) => this.stream.once('drain', resolve));
  }
}
