using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Outline;

namespace PlankFit.Tests.Support;

/// <summary>A bench book as a reader shows it: its sections by their outline.</summary>
internal sealed class BoundBook : IDisposable
{
    private readonly PdfDocument pdf;

    public BoundBook(string folder)
    {
        pdf = PdfDocument.Open(Path.Combine(folder, "bench-book.pdf"));
        Assert.True(pdf.TryGetBookmarks(out Bookmarks? bookmarks));
        Sections =
        [
            .. bookmarks!.Roots.Cast<DocumentBookmarkNode>().Select(n => (n.Title, n.PageNumber)),
        ];
        Marks =
        [
            .. bookmarks
                .GetNodes()
                .Cast<DocumentBookmarkNode>()
                .Select(n => (n.Title, n.PageNumber)),
        ];
    }

    /// <summary>The sections in order, with the first page of each.</summary>
    public IReadOnlyList<(string Name, int Page)> Sections { get; }

    /// <summary>Every line of the outline.</summary>
    public IReadOnlyList<(string Name, int Page)> Marks { get; }

    public int Pages => pdf.NumberOfPages;

    public Page Page(int number) => pdf.GetPage(number);

    /// <summary>The pages of a section.</summary>
    public IReadOnlyList<Page> Section(string name)
    {
        int i = Sections.ToList().FindIndex(s => s.Name == name);
        Assert.True(i >= 0, name);
        int to = i + 1 < Sections.Count ? Sections[i + 1].Page : pdf.NumberOfPages + 1;
        return
        [
            .. Enumerable
                .Range(Sections[i].Page, to - Sections[i].Page)
                .Select(n => pdf.GetPage(n)),
        ];
    }

    public void Dispose() => pdf.Dispose();
}
