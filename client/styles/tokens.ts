/** The tokens of the drawing sheet, for canvas drawing. `tokens.css` holds the same for everything else; a test keeps them equal. */
export const colours = {
  paper: '#F7F4EC',
  leaf: '#FDFBF6',
  desk: '#DDD5C3',
  ink: '#22303C',
  wall: '#2B2B28',
  blue: '#1F5C8B',
  must: '#A23B2A',
  note: '#4C6B57',
  rule: '#CFC7B5',
  wash: '#E3ECF3',
  mat: '#F3EEE0',
  /** Lines only: too light for text. */
  pencil: '#7A7466',
  /** Lines only: too light for text. */
  should: '#A66A00',
  pencilText: '#645D50',
  shouldText: '#875300',
} as const;

/** Stroke widths on the plan, px at any zoom. */
export const lines = { openSide: 3.4, selection: 2.2, outline: 1.1, swing: 0.9, dimension: 0.9, grid: 0.9 } as const;

/** Dash patterns, px. */
export const dashes = { mat: [5, 3.5], movedFrom: [2.5, 2.5], sight: [2, 3], proposed: [4, 3] } as const;

export const fonts = {
  title: "'Source Serif 4 Variable', 'Source Serif 4', Georgia, serif",
  control: "system-ui, -apple-system, 'Segoe UI', 'Noto Sans', Roboto, sans-serif",
} as const;
