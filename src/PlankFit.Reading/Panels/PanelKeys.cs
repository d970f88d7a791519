using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Panels;

/// <summary>[[panel]]: a panel of the hull besides the bottom.</summary>
public static class PanelKeys
{
    public static readonly TextKey Name = new(
        "name",
        "\"topside\"",
        "What the panel is called; layers and [ends] name it."
    )
    {
        AskedFor = "such as \"topside\"; layers name it",
    };

    public static readonly TextKey Letter = new(
        "letter",
        "\"T\"",
        "One capital letter, A to Z but not P or S, that its planks' names have: ST1-07; each panel's own."
    )
    {
        Otherwise = "the first letter of its name",
    };

    public static readonly TextKey Lower = new(
        "lower",
        "\"chine\"",
        "The table's line at its lower edge."
    )
    {
        AskedFor = "the table's line at its lower edge, such as \"chine\"",
    };

    public static readonly TextKey Upper = new(
        "upper",
        "\"sheer\"",
        "The table's line at its upper edge."
    )
    {
        AskedFor = "the table's line at its upper edge, such as \"sheer\"",
    };

    public static readonly TextsKey Between = new(
        "between",
        "[\"rubbing strake\"]",
        "Lines of the table between the two, from lower to upper, where sections are not straight; two at most."
    )
    {
        Otherwise = "straight sections",
    };

    public static readonly TextsKey Knuckles = new(
        "knuckles",
        "[\"spray knuckle\"]",
        "Those between that are corners; planks do not cross one, so that it asks for two panels."
    );

    public static readonly JobTable Table = new(Name, Letter, Lower, Upper, Between, Knuckles);
}
