"""`springwright init`: a bench folder that works at once, and never over one that is there."""


def test_a_new_bench_answers_its_first_need(run, tmp_path, monkeypatch):
    monkeypatch.delenv("SPRINGWRIGHT_CATALOG", raising=False)
    ran = run("init", tmp_path / "bench")
    assert ran.status == 0
    assert "need.yaml" in ran.out
    monkeypatch.chdir(tmp_path / "bench")
    assert run("source", "need.yaml").status == 0


def test_what_is_there_is_never_written_over(run, tmp_path):
    run("init", tmp_path)
    mine = tmp_path / "catalog" / "bench.yaml"
    mine.write_text("currency: SEK\n", "utf-8")
    ran = run("init", tmp_path)
    assert ran.status == 1
    assert "is there already" in ran.err
    assert mine.read_text("utf-8") == "currency: SEK\n"


def test_a_folder_that_cannot_be_written_leaves_nothing_behind(run, tmp_path):
    blocked = tmp_path / "bench"
    blocked.mkdir()
    (blocked / "catalog").write_text("a file where a folder belongs", "utf-8")
    ran = run("init", blocked)
    assert ran.status == 1
    assert [path.name for path in blocked.iterdir()] == ["catalog"]
