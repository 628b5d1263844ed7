-- Takes a person's names out of what a firm's record tells, for the erasure that this event records: who did it, and
-- where others named them. The hashes stay and so does the chain. The one change that is made to events.
CREATE FUNCTION garboard_erase_from_record(erasure uuid, names text[], replacement text) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
DECLARE
    cause events;
    name text;
    written text;
BEGIN
    SELECT * INTO cause FROM events WHERE id = erasure AND kind = 'person.erased' AND actor_id IS NOT NULL;
    -- Only while it is being recorded: an entry that is in the chain already can't be used a second time.
    IF cause IS NULL OR EXISTS (SELECT FROM event_links WHERE event_id = erasure) THEN
        RAISE EXCEPTION 'There is no erasure under way.';
    END IF;
    UPDATE events SET actor_name = replacement, salt = NULL, erased_by = erasure
    WHERE firm_id = cause.firm_id AND actor_id = cause.actor_id AND id <> erasure;
    FOREACH name IN ARRAY names LOOP
        CONTINUE WHEN length(name) < 3;
        -- As it is written within JSON, between word boundaries.
        written := trim(BOTH '"' FROM to_jsonb(name)::text);
        UPDATE events
        SET data = regexp_replace(data::text,
                '(?<!\w)' || regexp_replace(written, '([^\w\s])', '\\\1', 'g') || '(?!\w)', replacement, 'g')::jsonb,
            salt = NULL, erased_by = coalesce(erased_by, erasure)
        WHERE firm_id = cause.firm_id AND id <> erasure AND strpos(data::text, written) > 0
            AND data::text ~ ('(?<!\w)' || regexp_replace(written, '([^\w\s])', '\\\1', 'g') || '(?!\w)');
    END LOOP;
END
$$;
REVOKE ALL ON FUNCTION garboard_erase_from_record(uuid, text[], text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_erase_from_record(uuid, text[], text) TO garboard_app;

-- What was saved stays as it was; who saved it may ask to be forgotten.
GRANT UPDATE ("saved_by") ON "firm_catalogue_entries" TO garboard_app;
