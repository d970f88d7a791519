using System.Collections.Immutable;
using PlankFit.Export.Panels;

namespace PlankFit.Tests.Export;

/// <summary>Views below one another on a page: each as high as it needs, none in another's room, all of them and in their order.</summary>
public sealed class PanelRowTests
{
    [Theory]
    [InlineData(new[] { 40.0, 60.0, 30.0, 80.0 })]
    [InlineData(new[] { 90.0, 95.0, 10.0 })]
    [InlineData(new[] { 120.0, 20.0 })]
    [InlineData(new[] { 30.0 })]
    [InlineData(new[] { 30.0, 20.0, 26.0 })]
    public void EachHasWhatItNeeds(double[] needs)
    {
        const double room = 100;
        var given = new Dictionary<int, Box>();
        ImmutableArray<ImmutableArray<PanelRow>> pages = PanelRow.Pages(
            needs.Select((n, i) => new PanelRow(n, (_, box) => given.Add(i, box))),
            room
        );
        Assert.Equal(needs, pages.SelectMany(p => p.Select(r => r.NeedsMm)));
        foreach (ImmutableArray<PanelRow> page in pages)
        {
            Assert.True(page.Length == 1 || page.Sum(r => r.NeedsMm) <= room);
            given.Clear();
            int first = pages.TakeWhile(p => p != page).Sum(p => p.Length);
            PanelRow.Draw(null!, new(10, 5, 210, 5 + room), page);
            double top = 5 + room;
            for (int i = first; i < first + page.Length; i++)
            {
                Box box = given[i];
                Assert.Equal((10, 210, top), (box.Left, box.Right, box.Top));
                Assert.True(box.Height >= needs[i] - 1e-9);
                top = box.Bottom;
            }

            double left = Math.Max(0, room - page.Sum(r => r.NeedsMm));
            // One alone keeps to half a page where that will do; else all of it is shared out, to each as much.
            double share = page.Length == 1 ? Math.Max(0, 50 - needs[first]) : left / page.Length;
            for (int i = first; i < first + page.Length; i++)
            {
                Assert.Equal(needs[i] + share, given[i].Height, 1e-9);
            }

            Assert.True(page.Sum(r => r.NeedsMm) > room || top >= 5 - 1e-9);
        }
    }
}
