/** What the signs of the drawing mean that it shows. */
export const DrawingKey = ({ entries }: { readonly entries: readonly string[] }) => (
  <details>
    <summary>How to read the drawing</summary>
    <ul>
      {entries.map((markup) => (
        // What the reports say is escaped already.
        <li key={markup} dangerouslySetInnerHTML={{ __html: markup }} />
      ))}
    </ul>
  </details>
);
