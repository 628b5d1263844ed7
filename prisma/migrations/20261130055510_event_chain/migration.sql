-- What names people (actor_name, data) is not itself in the chain; its hash is, with a random salt. Erasing a person
-- takes the words and the salt away, and the hash, of which nothing can be guessed any more, stays.
ALTER TABLE "events" ADD COLUMN "salt" BYTEA DEFAULT uuid_send(gen_random_uuid()),
ADD COLUMN "erased_by" UUID;
ALTER TABLE "events" ADD CONSTRAINT events_salt_until_erased CHECK ((salt IS NULL) = (erased_by IS NOT NULL));
-- A line of the hashed text holds one field.
ALTER TABLE "events" ADD CONSTRAINT events_one_line CHECK (strpos(kind || actor_role, chr(10)) = 0);

-- CreateTable
CREATE TABLE "event_links" (
    "firm_id" UUID NOT NULL,
    "seq" BIGINT NOT NULL,
    "event_id" UUID NOT NULL,
    "details_hash" BYTEA NOT NULL,
    "previous_hash" BYTEA NOT NULL,
    "hash" BYTEA NOT NULL,

    CONSTRAINT "event_links_pkey" PRIMARY KEY ("firm_id","seq")
);

-- CreateTable
CREATE TABLE "event_heads" (
    "firm_id" UUID NOT NULL,
    "seq" BIGINT NOT NULL,
    "previous_hash" BYTEA NOT NULL,
    "hash" BYTEA NOT NULL,

    CONSTRAINT "event_heads_pkey" PRIMARY KEY ("firm_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "event_links_event_id_key" ON "event_links"("event_id");

-- CreateIndex
CREATE INDEX "events_firm_id_id_idx" ON "events"("firm_id", "id");

-- A firm's head is rewritten at every event: room for new versions beside the old ones, and no index to touch.
ALTER TABLE event_heads SET (fillfactor = 20);

-- The application reads the chain and can't write it: a trigger does, with the owner's rights.
REVOKE INSERT, UPDATE, DELETE ON event_links, event_heads FROM garboard_app;
DO $$
DECLARE
    name text;
    entitled constant text :=
        'ANY ((SELECT string_to_array(nullif(current_setting(''app.firm_ids'', true), ''''), '','')::uuid[])::uuid[])';
BEGIN
    FOREACH name IN ARRAY ARRAY['event_links', 'event_heads'] LOOP
        EXECUTE format('ALTER TABLE public.%I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format('CREATE POLICY own_firms ON public.%I FOR SELECT TO garboard_app USING (firm_id = %s)', name, entitled);
    END LOOP;
END
$$;

-- Adds an event to its firm's chain. What is hashed, in UTF-8: the details, as salt, name, line feed and the data's
-- text; the entry, as one line a field. core/events/verify-record does the same outside of the database.
CREATE FUNCTION garboard_link_event(e events) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
DECLARE
    details constant bytea := sha256(coalesce(e.salt, '') || convert_to(e.actor_name || chr(10) || e.data::text, 'UTF8'));
    head event_heads;
BEGIN
    UPDATE event_heads AS h
    SET seq = h.seq + 1,
        previous_hash = h.hash,
        hash = sha256(convert_to(concat_ws(chr(10),
            'garboard event 1',
            encode(h.hash, 'hex'),
            e.firm_id,
            h.seq + 1,
            e.id,
            coalesce(e.survey_id::text, '-'),
            coalesce(e.finding_id::text, '-'),
            coalesce(e.report_id::text, '-'),
            to_char(e.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
            e.kind,
            coalesce(e.actor_id::text, '-'),
            e.actor_role,
            encode(details, 'hex')), 'UTF8'))
    WHERE h.firm_id = e.firm_id
    RETURNING * INTO STRICT head;
    INSERT INTO event_links (firm_id, seq, event_id, details_hash, previous_hash, hash)
    VALUES (e.firm_id, head.seq, e.id, details, head.previous_hash, head.hash);
END
$$;

-- Makes sure that these firms have a head and locks them, always in the same order.
CREATE FUNCTION garboard_lock_heads(firms uuid[]) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
DECLARE
    wanted constant uuid[] := ARRAY(SELECT DISTINCT f FROM unnest(firms) AS f ORDER BY f);
    held bigint;
BEGIN
    LOOP
        SELECT count(*) INTO held
        FROM (SELECT FROM event_heads WHERE firm_id = ANY (wanted) ORDER BY firm_id FOR UPDATE) AS locked;
        EXIT WHEN held = cardinality(wanted);
        INSERT INTO event_heads (firm_id, seq, previous_hash, hash)
        SELECT f, 0, '', decode(repeat('00', 32), 'hex') FROM unnest(wanted) AS f ORDER BY f
        ON CONFLICT DO NOTHING;
    END LOOP;
END
$$;

-- While a transaction runs it only notes which firms it writes events of.
CREATE FUNCTION garboard_note_event_firms() RETURNS trigger
LANGUAGE plpgsql SET search_path = public, pg_temp
AS $$
BEGIN
    PERFORM set_config('garboard.event_firms', concat_ws(',',
        nullif(current_setting('garboard.event_firms', true), ''),
        (SELECT string_agg(DISTINCT firm_id::text, ',') FROM added)), true);
    RETURN NULL;
END
$$;

CREATE TRIGGER note_event_firms AFTER INSERT ON events
REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION garboard_note_event_firms();

-- At its end it locks their heads, the last locks it takes and in one order for all, and links its events: so two
-- transactions never wait for each other, whatever else they locked, and the head is held for the commit only.
CREATE FUNCTION garboard_chain_event() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
DECLARE
    firms constant text := nullif(current_setting('garboard.event_firms', true), '');
BEGIN
    IF firms IS NOT NULL THEN
        PERFORM garboard_lock_heads(string_to_array(firms, ',')::uuid[]);
        PERFORM set_config('garboard.event_firms', '', true);
    END IF;
    PERFORM garboard_link_event(NEW);
    RETURN NULL;
END
$$;

CREATE CONSTRAINT TRIGGER chain_event AFTER INSERT ON events
DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION garboard_chain_event();

REVOKE ALL ON FUNCTION garboard_link_event(events), garboard_lock_heads(uuid[]), garboard_chain_event() FROM PUBLIC;

-- Installations that have run without a chain: what they have is linked in the order in which it was written.
DO $$
DECLARE
    e events;
BEGIN
    PERFORM garboard_lock_heads(ARRAY(SELECT DISTINCT firm_id FROM events UNION SELECT id FROM firms));
    FOR e IN SELECT * FROM events ORDER BY id LOOP
        PERFORM garboard_link_event(e);
    END LOOP;
END
$$;

-- Every firm that has a record, those whose own row is gone among them.
CREATE FUNCTION garboard_record_firms() RETURNS uuid[]
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT coalesce(array_agg(id ORDER BY id), '{}')
    FROM (SELECT id FROM firms UNION SELECT firm_id FROM event_heads) AS known;
$$;
REVOKE ALL ON FUNCTION garboard_record_firms() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_record_firms() TO garboard_app;
