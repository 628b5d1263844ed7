-- CreateTable
CREATE TABLE "firm_exports" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'queued',
    "progress" INTEGER NOT NULL DEFAULT 0,
    "stage" TEXT NOT NULL DEFAULT '',
    "problem" TEXT,
    "claim" UUID,
    "heartbeat_at" TIMESTAMPTZ(3),
    "sha256" TEXT,
    "bytes" BIGINT,
    "asked_by_id" UUID,
    "asked_by" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "ready_at" TIMESTAMPTZ(3),
    "kept_until" TIMESTAMPTZ(3),

    CONSTRAINT "firm_exports_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "store_holds" (
    "id" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "until" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "store_holds_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "former_ids" (
    "firm_id" UUID NOT NULL,
    "former_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,

    CONSTRAINT "former_ids_pkey" PRIMARY KEY ("firm_id","former_id")
);

-- CreateIndex
CREATE INDEX "firm_exports_firm_id_id_idx" ON "firm_exports"("firm_id", "id");

-- CreateIndex
CREATE INDEX "firm_exports_state_heartbeat_at_idx" ON "firm_exports"("state", "heartbeat_at");

-- CreateIndex
CREATE INDEX "former_ids_person_id_idx" ON "former_ids"("person_id");

-- AddForeignKey
ALTER TABLE "firm_exports" ADD CONSTRAINT "firm_exports_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "former_ids" ADD CONSTRAINT "former_ids_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "former_ids" ADD CONSTRAINT "former_ids_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

SELECT garboard_add_policies('firm_exports', 'staff');
SELECT garboard_add_policies('former_ids', 'staff');

-- While somebody copies what a snapshot names, no object is removed: what became free meanwhile is found by the sweep for
-- objects that no row names.
CREATE FUNCTION garboard_store_held() RETURNS boolean
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM store_holds WHERE until > clock_timestamp());
$$;
REVOKE ALL ON FUNCTION garboard_store_held() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_store_held() TO garboard_app;

-- An archive is an object in use.
CREATE OR REPLACE FUNCTION garboard_object_in_use(hash text) RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM photos WHERE hash IN (sha256, thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM report_photos WHERE hash IN (thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM clearance_files WHERE hash IN (sha256, thumb_hash, screen_hash))
        OR EXISTS (SELECT FROM photo_prints WHERE sha256 = hash)
        OR EXISTS (SELECT FROM reports WHERE sha256 = hash)
        OR EXISTS (SELECT FROM quotations WHERE pdf_sha256 = hash)
        OR EXISTS (SELECT FROM firm_exports WHERE sha256 = hash);
$$;

-- An event that comes with its place in the chain, as when a firm is brought in from an archive, keeps that place.
-- The application can't write places, so what it records is always added at the end.
CREATE OR REPLACE FUNCTION garboard_chain_event() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
DECLARE
    firms constant text := nullif(current_setting('garboard.event_firms', true), '');
BEGIN
    IF firms IS NOT NULL THEN
        PERFORM garboard_lock_heads(string_to_array(firms, ',')::uuid[]);
        PERFORM set_config('garboard.event_firms', '', true);
    END IF;
    IF NOT EXISTS (SELECT FROM event_links WHERE event_id = NEW.id AND firm_id = NEW.firm_id) THEN
        PERFORM garboard_link_event(NEW);
    END IF;
    RETURN NULL;
END
$$;

-- Where somebody stands in a firm's record under the id of another installation, an erasure finds them too.
CREATE OR REPLACE FUNCTION garboard_erase_from_record(erasure uuid, names text[], replacement text) RETURNS void
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
    WHERE firm_id = cause.firm_id AND id <> erasure AND (
        actor_id = cause.actor_id OR actor_id IN (
            SELECT former_id FROM former_ids WHERE firm_id = cause.firm_id AND person_id = cause.actor_id));
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
