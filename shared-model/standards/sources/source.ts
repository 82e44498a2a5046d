/** Where a figure comes from, and how surely it was read there. */
export interface Source {
  readonly document: string;
  /** Empty where the document has none. */
  readonly clause: string;
  readonly edition: string;
  readonly jurisdiction: string;
  /**
   * found: every figure was read in a stored page; part-found: some were, the others are from memory;
   * memory: none was, so it is a class rule here and never "the standard says"; own: ours or the class's.
   */
  readonly status: 'found' | 'part-found' | 'memory' | 'own';
  /** Read in a commentary or a training page, not in the document itself. */
  readonly secondHand?: true;
}
