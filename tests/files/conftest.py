from tests.files.faults import full_disk

__all__ = ["full_disk"]
