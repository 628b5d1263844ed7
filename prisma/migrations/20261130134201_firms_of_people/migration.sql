-- Asked with every request. A person may be party to thousands of surveys of a few firms: from each firm on, the next one is
-- looked up in the index, instead of reading all of them.
CREATE OR REPLACE FUNCTION garboard_firms_of(person uuid) RETURNS uuid[]
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    WITH RECURSIVE taken_part AS (
        (SELECT firm_id FROM parties WHERE person_id = person ORDER BY firm_id LIMIT 1)
        UNION ALL
        SELECT following.firm_id FROM taken_part AS last CROSS JOIN LATERAL (
            SELECT p.firm_id FROM parties AS p
            WHERE p.person_id = person AND p.firm_id > last.firm_id ORDER BY p.firm_id LIMIT 1
        ) AS following
    )
    SELECT coalesce(array_agg(firm_id ORDER BY firm_id), '{}')
    FROM (
        SELECT firm_id FROM firm_members WHERE person_id = person
        UNION
        SELECT firm_id FROM taken_part
    ) AS entitled;
$$;
