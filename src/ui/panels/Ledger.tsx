/** The six numbers a client asks first. */
export function Ledger() {
  return <aside aria-label="Ledger" className="ledger" />
}
