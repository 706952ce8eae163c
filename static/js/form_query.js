// The fields of a form as the query of an address.

/**
 * @param {HTMLFormElement} form without file fields
 * @returns {URLSearchParams} a field that is there twice comes twice
 */
export function queryOf(form) {
  const query = new URLSearchParams();
  for (const [name, value] of new FormData(form)) query.append(name, String(value));
  return query;
}
