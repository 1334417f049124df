import { canonicalTables } from '../../lib/records/canonicalTables';
import { ScrollBox } from '../table/ScrollBox';

/** Which tables and columns are expected, from the schemas that check them. */
export function ExpectedTables() {
  return (
    <>
      <h2>What is expected</h2>
      <p>
        CSV files, best UTF-8 with commas, decimal points and ISO dates, one table to a file. Only overhauls
        and readings are needed to see wear rates; limits give verdicts, the plan gives dates. A column whose
        name is not recognised is named in the message of its file. Nothing is changed silently: every row
        that cannot be used is held and listed above.
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
