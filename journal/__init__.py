"""A journal of the restoration of one old car.

The layers, from the top: ``desktop`` and ``cli`` (ways in), ``actions`` (what a person does),
``intake``, ``ledger``, ``vision``, ``dossier`` and ``demo`` (kinds of work), ``store`` (one journal
folder), ``files`` and ``domain`` (durable writing; plain values and rules). Imports go downwards
only.
"""

__version__ = "0.1.0"
