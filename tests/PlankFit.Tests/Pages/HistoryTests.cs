using PlankFit.Pages.Sessions;
using PlankFit.Reading.Offsets;

namespace PlankFit.Tests.Pages;

/// <summary>The texts of a job one after the other: what is undone comes back as it was, one movement of the hand is one step, and what is changed after undoing begins anew.</summary>
public sealed class HistoryTests
{
    private static readonly History Three = History
        .Of("a")
        .With("b", "width", "")
        .With("c", "angle", "");

    [Fact]
    public void WhatIsUndoneIsRedone()
    {
        History once = Three.Undone(),
            twice = once.Undone();
        Assert.Equal(["b", "a", "a"], new[] { once, twice, twice.Undone() }.Select(Text));
        Assert.Equal(
            ["b", "c", "c"],
            new[] { twice.Redone(), twice.Redone().Redone(), Three.Redone() }.Select(Text)
        );
        Assert.Equal("angle", twice.Redone().Redone().Present.Done);
    }

    [Fact]
    public void AChangeAfterUndoingLeavesNothingToRedo()
    {
        History other = Three.Undone().With("d", "count", "");
        Assert.Equal("d", Text(other.Redone()));
        Assert.Equal(["b", "a"], other.Past.Select(s => s.Text));
        History drawn = Three.Undone().With("d", "count", "drag 1").With("e", "count", "drag 1");
        Assert.Equal("e", Text(drawn.Redone()));
    }

    [Fact]
    public void OneMovementIsOneStep()
    {
        History drawn = Three.With("d", "angle", "drag 1").With("e", "angle", "drag 1");
        Assert.Equal(["c", "b", "a"], drawn.Past.Select(s => s.Text));
        Assert.Equal("e", Text(drawn));
        // Another movement is another step; so is the same one, once it was undone.
        Assert.Equal("e", Text(drawn.With("f", "angle", "drag 2").Undone()));
        History undone = drawn.Undone().With("g", "angle", "drag 1");
        Assert.Equal("c", Text(undone.Undone()));
        // And what is undone itself came of none that could go on.
        History before = drawn.With("h", "angle", "drag 2").Undone().With("i", "angle", "drag 2");
        Assert.Equal("e", Text(before.Undone()));
        Assert.Equal("f", Text(drawn.With("f", "", "").With("f", "again", "")));
        Assert.Equal("e", Text(drawn.With("f", "", "").With("f", "again", "").Undone()));
    }

    /// <summary>A table that was mended is kept through what is changed in the job, and goes where its mending is undone.</summary>
    [Fact]
    public void TheTableGoesWithItsStep()
    {
        var table = new TableInHand("offsets.csv", "mended");
        History mended = Three.WithTable("c", table, "a cell"),
            changed = mended.With("d", "width", "");
        Assert.Equal(table, changed.Present.Table);
        Assert.Equal(table, changed.Undone().Present.Table);
        Assert.Null(changed.Undone().Undone().Present.Table);
        Assert.Equal(table, changed.Undone().Undone().Redone().Present.Table);
        Assert.Null(changed.WithTable("d", null, "saved").Present.Table);
    }

    /// <summary>Sixteen million signs are kept, the newest of them, in their order; of what is longer by itself the last.</summary>
    [Fact]
    public void AsMuchIsKeptAsThereIsRoomFor()
    {
        string[] texts =
        [
            .. Enumerable.Range(0, 6).Select(i => new string((char)('a' + i), 5_000_000)),
        ];
        var kept = History.Of(texts[0]);
        foreach (string text in texts.Skip(1))
        {
            kept = kept.With(text, "", "");
        }

        Assert.Equal(["e", "d", "c"], kept.Past.Select(s => s.Text[..1]));
        History one = History.Of(new string('x', 17_000_000)).With("y", "", "");
        Assert.Equal("x", one.Undone().Present.Text[..1]);
        // The table of offsets takes room as well.
        var table = new TableInHand("offsets.csv", new string('t', 10_000_000));
        History held = History
            .Of("a")
            .WithTable("b", table, "")
            .With("c", "", "")
            .With("d", "", "");
        Assert.Equal(["c"], held.Past.Select(s => s.Text));
    }

    private static string Text(History history) => history.Present.Text;
}
