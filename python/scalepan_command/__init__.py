"""The command ``scalepan``: reads its command line, and only then loads the package.

It stands beside the package since any module inside would load all of it, and so its core.
"""
