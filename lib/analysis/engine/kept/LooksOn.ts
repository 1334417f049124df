/** This tab may not write: another one does, or has written since this one read what is kept. */
export class LooksOn extends Error {
  constructor() {
    super(
      'another tab of this browser writes and this one looks on, so nothing was changed. Take over writing, or make the change there.',
    );
    this.name = 'LooksOn';
  }
}
