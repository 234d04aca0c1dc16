"""MkDocs page by page, for ``serve``.

The one module that calls what MkDocs keeps to itself: the functions that read one page, render one
page and render one file of the theme, in the order of its own ``build``. That is why MkDocs is
pinned to one version.
"""

from __future__ import annotations

from pathlib import Path

from mkdocs.commands.build import _build_page, _build_theme_template, _populate_page
from mkdocs.structure.files import get_files, set_exclusions
from mkdocs.structure.nav import get_navigation
from mkdocs.structure.pages import Page

from almanac.publish.errors import SiteError
from almanac.publish.mkdocs_settings import HOOKS, configuration
from almanac.publish.mkdocs_warnings import as_site_error
from almanac.site.settings import SiteSettings


class MkDocsPages:
    """The Markdown below ``pages``, rendered page by page; ``scratch`` takes what MkDocs writes."""

    def __init__(self, work: Path, pages: Path, scratch: Path, settings: SiteSettings) -> None:
        """Read the settings. Raises SiteError where they cannot be."""
        with as_site_error():
            config = configuration(work, pages, scratch, settings, HOOKS)
            self._config = config.plugins.on_config(config)
            self._env = config.plugins.on_env(
                self._config.theme.get_env(), config=self._config, files=get_files(self._config)
            )
        self.read_again()

    def read_again(self) -> None:
        """Look which files there are. To be called when a file has come or gone."""
        config = self._config
        with as_site_error():
            files = get_files(config)
            files.add_files_from_theme(self._env, config)
            files = config.plugins.on_files(files, config=config)
            set_exclusions(files, config)
            nav = get_navigation(files, config)
            self._nav = config.plugins.on_nav(nav, config=config, files=files)
            self._files = files
            for file in files.documentation_pages():
                if file.page is None:
                    Page(None, file, config)
            for page in self._nav.pages:
                _populate_page(page, config, files)

    def holds(self, file: str) -> bool:
        """Whether a file was there when the files were last looked at."""
        return self._files.get_file_from_path(file) is not None

    def html(self, file: str) -> tuple[str, str]:
        """The file that a page becomes, from the root of the site, and its HTML. Raises SiteError
        where MkDocs fails or warns.
        """
        config, found = self._config, self._files.get_file_from_path(file)
        assert found is not None
        assert found.page is not None
        page = found.page
        with as_site_error() as said:
            _populate_page(page, config, self._files)
            _build_page(page, config, self._files.documentation_pages(), self._nav, self._env)
        if said:
            raise SiteError("\n".join(["MkDocs failed:", *said]))
        if page not in self._nav.pages:  # the texts of hundreds of pages would stay in memory
            page.content = page.markdown = None
        return found.dest_uri, Path(found.abs_dest_path).read_text("utf-8")

    def of_theme(self) -> dict[str, str]:
        """The files that the theme renders for the site as a whole, by path from its root."""
        found = {}
        for name in sorted(self._config.theme.static_templates):
            with as_site_error():
                _build_theme_template(name, self._env, self._files, self._config, self._nav)
            path = Path(self._config.site_dir) / name
            if path.is_file():
                found[name] = path.read_text("utf-8")
        return found
