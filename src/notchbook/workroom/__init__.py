"""The workroom: a page in the browser, served from her own computer, thin over the app.

``serve.serve`` starts it, ``application.create_app`` makes the server, ``answers`` holds what
the page is told, ``asked`` what it may ask. All lengths are mm; texts are in the reader's unit.
"""
