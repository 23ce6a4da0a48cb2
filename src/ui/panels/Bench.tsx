/** What the selected thing is made of, and what else it could be. */
export function Bench() {
  return <section aria-label="Bench" className="bench" />
}
