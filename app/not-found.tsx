import Link from 'next/link';

/** What an unknown address shows. */
export default function NotFound() {
  return (
    <>
      <h1>No such page</h1>
      <p>
        Nothing is kept at this address. <Link href="/">Go to the Fleet page.</Link>
      </p>
    </>
  );
}
