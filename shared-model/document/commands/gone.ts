/** Something was to be added to a thing that is gone; there is no id to hand back. */
export class Gone extends Error {
  constructor(
    readonly what: string,
    readonly id: string,
  ) {
    super(`The ${what} "${id}" is no longer there, so nothing was added to it.`);
    this.name = 'Gone';
  }
}
