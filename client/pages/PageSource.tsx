import { sourceText } from '#model/standards/sources.ts';

/** The same sources as findings cite them, document, clause and edition written out. */
export function PageSource({ sources }: { sources: readonly string[] }) {
  if (sources.length === 0) return null;
  return (
    <>
      <p className="aside">As findings cite them:</p>
      <ul className="page-list aside">
        {sources.map((source) => (
          <li key={source}>{sourceText(source)}</li>
        ))}
      </ul>
    </>
  );
}
