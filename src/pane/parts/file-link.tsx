import { useEffect, useState } from "preact/hooks";

interface Props {
  name: string;
  type: string;
  text: string;
}

/**
 * A link that saves a text as a file. A page made here and opened in a window of its own would stand
 * under the pane's policy, and without its style; saved and opened from there it does not.
 */
export function FileLink({ name, type, text }: Props) {
  const file = fileName(name);
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [text, type]);
  return (
    <p class="file-link">
      <a href={address} download={file}>
        Save {file}
      </a>
    </p>
  );
}

/** Signs that some system does not take in the name of a file. */
const fileName = (name: string): string =>
  name
    .replace(/[\\/:*?"<>|]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
