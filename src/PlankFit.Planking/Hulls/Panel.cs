using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Hulls;

/// <summary>
/// The surface between two lines of the table, one side of the boat: from its lower edge to its upper one, from stem to transom. The bottom is the panel whose
/// lower edge is the keel.
/// </summary>
/// <param name="Name">As it stands in sentences: bottom, topside.</param>
/// <param name="Letter">That the names of its planks have after the side; empty for the bottom.</param>
/// <param name="Lower">The table's line at the lower edge: the inboard one of a bottom.</param>
/// <param name="Upper">The table's line at the upper edge.</param>
/// <param name="Between">Lines of the table that its sections run through, from the lower edge to the upper one.</param>
public sealed record Panel(
    string Name,
    string Letter,
    string Lower,
    string Upper,
    ImmutableArray<string> Between
)
{
    /// <summary>The panel whose places along the hull this one is measured by, so that the line which they share is one curve and no seam gapes; null for its own.</summary>
    public Panel? Beside { get; init; }

    /// <summary>What the bottom is called.</summary>
    public const string BottomName = "bottom";

    public static Panel Bottom(string keel, string chine, ImmutableArray<string> between) =>
        new(BottomName, PlankId.Bottom, keel, chine, between);

    /// <summary>Whether its lower edge is the keel.</summary>
    public bool HasKeel => Letter.Length == 0;

    /// <summary>All its lines, from the lower edge to the upper one.</summary>
    public IEnumerable<string> Lines => [Lower, .. Between, Upper];

    /// <summary>An edge by the word that is used for it: a bottom's are keel and chine whatever the table calls them, another panel's the lines of the table.</summary>
    public string WordOf(PanelEdge edge) =>
        edge switch
        {
            PanelEdge.Lower when !HasKeel => Lower,
            PanelEdge.Upper when !HasKeel => Upper,
            _ => BottomWordOf(edge),
        };

    /// <summary>Which way an end of one of its planks lies that is nearer the lower edge: inboard on a bottom, lower on another panel.</summary>
    public static string InnerWordOf(PlankId plank) =>
        plank.Panel == PlankId.Bottom ? "inboard" : "lower";

    /// <summary>The same of the other end.</summary>
    public static string OuterWordOf(PlankId plank) =>
        plank.Panel == PlankId.Bottom ? "outboard" : "upper";

    /// <summary>The way from the lower edge to the upper one: going outboard, going up.</summary>
    public static string OutwardWordOf(PlankId plank) =>
        plank.Panel == PlankId.Bottom ? "outboard" : "up";

    public static string BottomWordOf(PanelEdge edge) =>
        edge switch
        {
            PanelEdge.Lower => "keel",
            PanelEdge.Upper => "chine",
            PanelEdge.Transom => "transom",
            _ => "stem",
        };
}
