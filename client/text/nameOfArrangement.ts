/** What an arrangement is called; one without a name says so. */
export const nameOfArrangement = ({ name }: { readonly name: string }): string => name || 'without a name';
