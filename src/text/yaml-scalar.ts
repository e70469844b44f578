/** A YAML scalar: plain where that cannot be misread, else in double quotes (a subset of JSON). */
export function scalar(text: string): string {
  const plain = /^[A-Za-z][\w.-]*(?: [\w.-]+)*$/.test(text);
  return plain && !/^(?:true|false|null|yes|no|on|off)$/i.test(text) ? text : JSON.stringify(text);
}
