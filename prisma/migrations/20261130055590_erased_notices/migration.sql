-- A notice keeps what its sentence needs, names among it: when people's words are taken out of an event, what others
-- were told of it goes too. With the owner's rights, as nobody else may touch another's notices.
CREATE FUNCTION garboard_erase_notices() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp
AS $$
BEGIN
    DELETE FROM notices WHERE event_id = NEW.id;
    RETURN NULL;
END
$$;
CREATE TRIGGER erase_notices AFTER UPDATE OF erased_by ON events FOR EACH ROW
    WHEN (NEW.erased_by IS NOT NULL) EXECUTE FUNCTION garboard_erase_notices();
