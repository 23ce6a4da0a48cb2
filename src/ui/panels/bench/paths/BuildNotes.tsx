/** What is minded while a step is built; never folded, since fire, load and air for a flame are among it. */
export function BuildNotes({ texts }: { readonly texts: readonly string[] }) {
  if (texts.length === 0) return null
  return (
    <div className="next-minds">
      <p className="bench-said">While it is built:</p>
      <ul className="bench-notes">
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  )
}
