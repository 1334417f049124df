import { FleetPage } from './fleet/FleetPage';

/** Fleet: which unit needs what, by when? */
export default function Page() {
  return (
    <>
      <h1>Fleet</h1>
      <FleetPage />
    </>
  );
}
