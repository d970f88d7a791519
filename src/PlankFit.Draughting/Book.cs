using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting;

/// <summary>Drawings bound into one document, with what there is to find a page by.</summary>
/// <param name="Title">For the document's own title field.</param>
/// <param name="Marks">The outline to jump by, as readers show it beside the pages.</param>
public sealed record Book(
    string Title,
    ImmutableArray<Drawing> Pages,
    ImmutableArray<BookMark> Marks,
    ImmutableArray<PageLink> Links
)
{
    /// <summary>Pages without an outline.</summary>
    public static Book Plain(string title, IReadOnlyList<Drawing> pages) =>
        new(title, [.. pages], [], []);
}

/// <summary>A line of the outline.</summary>
/// <param name="Page">Which it leads to, the first being 0.</param>
/// <param name="Within">What is found below it; shut until it is opened.</param>
public sealed record BookMark(string Name, int Page, ImmutableArray<BookMark> Within);

/// <summary>A place on a page that leads to the head of another, mm from the lower left corner.</summary>
public sealed record PageLink(int OnPage, Vec2 LowerLeft, Vec2 UpperRight, int ToPage);
