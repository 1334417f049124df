import { canonicalTables } from '../../lib/records/canonicalTables';
import { ScrollBox } from '../table/ScrollBox';

/** Which tables and columns are expected, from the schemas that check them. */
export function ExpectedTables() {
  return (
    <>
      <h2>What is expected</h2>
      <p>
        A CSV export in a workshop’s own form: one row an overhaul or one row a reading, with at least the
        unit, the date, its hours and readings; headers in English, German, French, Spanish, Norwegian or
        Russian, any delimiter, decimal sign and usual encoding. What cannot be known is asked above. Or the
        tables below by their own names: limits give verdicts, the plan gives dates. Nothing is changed
        silently: every cell that cannot be used is held and listed.
      </p>
      {canonicalTables.map((table) => (
        <details key={table.name}>
          <summary>
            <code>{table.name}.csv</code>: {table.description}
          </summary>
          <ScrollBox labelledBy={`columns-${table.name}`}>
            <table>
              <caption id={`columns-${table.name}`}>Columns of {table.name}.csv</caption>
              <thead>
                <tr>
                  <th scope="col">Column</th>
                  <th scope="col">Needed</th>
                  <th scope="col">Unit</th>
                  <th scope="col">What it holds</th>
                </tr>
              </thead>
              <tbody>
                {table.columns.map((column) => (
                  <tr key={column.name}>
                    <th scope="row">
                      <code>{column.name}</code>
                    </th>
                    <td>{column.required ? 'yes' : 'may be empty'}</td>
                    <td>{column.unit ?? 'none'}</td>
                    <td className="text">{column.description}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollBox>
        </details>
      ))}
    </>
  );
}
