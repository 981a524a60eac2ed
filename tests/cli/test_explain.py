"""`springwright explain`: a list of pages, a page, and a misspelt page."""


def test_without_a_topic_it_lists_the_pages_each_with_one_line(run):
    ran = run("explain")
    assert ran.status == 0
    assert "  springback     Springback: why the mandrel is thinner than the spring\n" in ran.out
    assert len(ran.out.strip().split("\n")) >= 12


def test_a_topic_prints_its_page(run):
    out = run("explain", "springback").out
    assert out.startswith("Springback: why the mandrel is thinner than the spring\n")
    assert "1/C_f = 1/C_m − ε g(x)" in out


def test_how_the_words_of_a_topic_are_joined_does_not_matter(run):
    assert run("explain", "Winding-Model").out == run("explain", "winding_model").out


def test_a_misspelt_topic_is_a_wrong_command_line_and_names_the_nearest(run):
    ran = run("explain", "measurin")
    assert ran.status == 2
    assert ran.out == ""
    assert "there is no page “measurin”; expected a page of the handbook; did you mean measuring?" in " ".join(
        ran.err.split()
    )


def test_a_topic_like_none_lists_all(run):
    assert "springback" in run("explain", "zzz").err


def test_checks_show_source_published_ours_difference_and_memory(run):
    """The hand-checked spring of the winding model: 1.310 N/mm."""
    lines = run("explain", "checks").out.split("\n")
    rate = next(line for line in lines if line.strip().startswith("rate, N/mm") and "1.310" in line)
    assert rate.split()[-4:] == ["1.310", "1.30972", "-0.021", "derived"]
