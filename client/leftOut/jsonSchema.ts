/**
 * Stands in for the part of zod that writes schemas as JSON schema (vite.config.ts): every schema that is made names it,
 * nothing here calls it. Should something, it says so instead of giving a wrong answer.
 */
const left = (): never => {
  throw new Error('JSON schema is left out of the page: see vite.config.ts.');
};
export const createToJSONSchemaMethod = () => left;
export const createStandardJSONSchemaMethod = () => left;
