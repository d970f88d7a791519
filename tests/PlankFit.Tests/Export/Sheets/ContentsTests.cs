using PlankFit.Export.Binding;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>The contents of a bench book name what its sheets are found by, down to the single cut sheet, on as many pages as that takes.</summary>
public sealed class ContentsTests
{
    private static Job Job => DemoPlans.Of("survey-launch").Job;

    private static Drawing Sheet(string foundBy) =>
        new(foundBy, 297, 210, []) { FoundBy = [foundBy] };

    private static Book Bound(int cutSheets) =>
        BenchBook.Of(
            Job,
            [
                new("Plank list", [Sheet("a"), Sheet("b")]),
                new("Cut sheets", [.. Enumerable.Range(1, cutSheets).Select(i => Sheet($"B.{i}"))]),
            ]
        );

    [Theory]
    [InlineData(5, 1)]
    [InlineData(70, 2)]
    [InlineData(120, 3)]
    public void EveryCutSheetHasItsLineAndItsLink(int cutSheets, int pages)
    {
        Book book = Bound(cutSheets);
        Assert.Equal(pages + 2 + cutSheets, book.Pages.Length);
        for (int i = 1; i <= cutSheets; i++)
        {
            PageLink link = Assert.Single(
                book.Links,
                l => book.Pages[l.ToPage].Title == $"B.{i}" && Named(l) == $"B.{i}"
            );
            Assert.InRange(link.OnPage, 0, pages - 1);
        }

        // The number of the page stands below the frame.
        Assert.All(
            book.Pages.Take(pages),
            p =>
                Assert.DoesNotContain(
                    SheetCheck.Faults(p),
                    f => !f.Contains("bench book, page", StringComparison.Ordinal)
                )
        );

        // What is written where the link lies.
        string? Named(PageLink l) =>
            book.Pages[l.OnPage]
                .Shapes.OfType<Lettering>()
                .FirstOrDefault(t =>
                    t.At.X >= l.LowerLeft.X
                    && t.At.X < l.UpperRight.X - 20
                    && t.At.Y > l.LowerLeft.Y
                    && t.At.Y < l.UpperRight.Y
                )
                ?.Text;
    }

    /// <summary>Of hundreds the sections are left, and nothing runs over.</summary>
    [Fact]
    public void OfHundredsTheSectionsAreLeft()
    {
        Book book = Bound(400);
        Assert.DoesNotContain(book.Pages[0].Shapes.OfType<Lettering>(), t => t.Text == "B.1");
        Assert.Contains(book.Links, l => l.ToPage == 1 + 2);
    }
}
