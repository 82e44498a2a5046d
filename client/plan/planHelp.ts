/** What the keys do on the drawing, for who hears the page. */
export const planHelp = (mayChange: boolean): string =>
  mayChange
    ? 'Tab goes from thing to thing, arrows slide the chosen one by 0.05 metres, with Shift by 0.50, with Alt by 0.01. With Tape or Remark they move a cross, and Enter presses there. Enter opens a shelf’s front, Delete puts away, Escape lets go; after that Tab leaves the plan. [ and ] turn by 15 degrees, with Alt by one. V chooses several: Enter adds what Tab is on. ? lists all keys. The lists hold the same things in words.'
    : 'Tab goes from thing to thing, which you may look at and not change. With Tape or Remark the arrows move a cross, and Enter presses there. Enter opens a shelf’s front, Escape lets go; after that Tab leaves the plan. ? lists all keys. The lists hold the same things in words.';
