"""What a patternmaker does with Notchbook: one typed function for each thing.

The command line and the workroom are thin over this layer. It alone opens the book, and it holds
the gate that refuses to print what would spoil cloth.

What is where, in the order of the work:

- measures from elsewhere: ``importing``, ``importing_charts``, ``exporting``, ``chart_files``
- measures looked over: ``looking_over`` (a body, or a file with a report), ``looking_over_shift`` (what is
  off in the whole file), ``looking_over_stale``, ``looking_over_report``, ``looking_over_first`` (before an
  estimate)
- measures that nobody took: ``needs`` (what blocks and styles ask for), ``garment_needs`` (the same by name),
  ``filling_estimates`` (for a draft), ``estimating_bodies`` (for a file), ``next_measures`` and
  ``next_measure`` (what to take next), ``uncertainty`` (how far a pattern moves), ``resting_on_estimates``
  (which a pattern rests on)
- one thing against another: ``comparing``, ``padding_forms``
- the draft: ``drafting``, ``garment_parameters`` (the blocks of one garment), ``settings`` (as text),
  ``draft_order`` (with estimates and cures), ``curing`` (a change that heals), ``contradictions`` (measures
  that disagree)
- what came of it: ``ease_rows``, ``examining`` (checks), ``drift``, ``explaining`` (help)
- what is handed out: ``papers``, ``style_file``, ``made_to_measure`` (one block for many bodies), ``demo``
- edits as data, one class for each: ``body_edits`` (values), ``set_edits`` (the set as a whole),
  ``estimate_edits``, ``repair_edits`` (a slip that was offered), ``chart_edits``, ``style_edits``
- ``studio``: one book, open for work; ``personal_data``: a client under a code, handed out, erased
- beneath them: ``staging`` (files all or none), ``side_processes`` (work on several cores)
"""
