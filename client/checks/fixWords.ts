import { labelParts } from '#model/findings/edit.ts';

/** What the button of a fix says, and what stands before it where something comes with it. */
export function fixWords(label: string): { readonly button: string; readonly brings: string | null } {
  const { does, brings } = labelParts(label);
  // Some rules write "Do it: …" themselves.
  return { button: does.startsWith('Do it') ? does : `Do it: ${does}`, brings };
}
