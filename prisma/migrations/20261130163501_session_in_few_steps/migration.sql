-- As before, made of so few steps that the start of its plan, which is most of it, costs two thirds: what somebody is in
-- which firms, and the firms where they take part, as texts that are taken apart only when they have changed.
DROP FUNCTION garboard_session(text);
CREATE FUNCTION garboard_session(token_hash text)
RETURNS TABLE (
    person_id uuid, name text, email text, last_seen_at timestamptz, memberships text, part_in text
)
LANGUAGE sql STABLE SECURITY DEFINER
-- Its names are bound as it is made, so no search path decides what they mean.
BEGIN ATOMIC
    SELECT
        people.id,
        people.name,
        people.email,
        sessions.last_seen_at,
        array_to_string(
            ARRAY(SELECT m.firm_id || ':' || m.role FROM public.firm_members AS m WHERE m.person_id = people.id), ','
        ),
        array_to_string(
            ARRAY(
                -- Firm by firm along the index: an insurer takes part in thousands of surveys of a few firms.
                WITH RECURSIVE part AS (
                    (SELECT p.firm_id FROM public.parties AS p WHERE p.person_id = people.id ORDER BY p.firm_id LIMIT 1)
                    UNION ALL
                    SELECT (
                        SELECT p.firm_id FROM public.parties AS p
                        WHERE p.person_id = people.id AND p.firm_id > last.firm_id ORDER BY p.firm_id LIMIT 1
                    )
                    FROM part AS last WHERE last.firm_id IS NOT NULL
                )
                SELECT part.firm_id FROM part WHERE part.firm_id IS NOT NULL
            ), ','
        )
    FROM public.sessions JOIN public.people ON people.id = sessions.person_id
    WHERE sessions.token_hash = garboard_session.token_hash AND sessions.expires_at > now();
END;
REVOKE ALL ON FUNCTION garboard_session(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_session(text) TO garboard_app;
