using PlankFit.Pages.Sessions;

namespace PlankFit.Tests.Pages;

/// <summary>What is wished for last is done to its end: nobody tells it that something newer waits, which would leave a page without it until the next change.</summary>
public sealed class WishesTests
{
    private const int Many = 20_000;

    [Fact]
    public async Task AWishOfOneWhoWaitsForItIsNeverOvertakenByItself()
    {
        int overtaken = 0;
        using var done = new SemaphoreSlim(0);
        await using var wishes = new Wishes();
        wishes.Begin(
            (_, newer) =>
            {
                // As short as it can be, so that whoever wished is still at it, and long enough to be told.
                Thread.SpinWait(200);
                overtaken += newer.IsCancellationRequested ? 1 : 0;
                done.Release();
            },
            Assert.Null
        );
        for (int i = 0; i < Many; i++)
        {
            wishes.Wish();
            Assert.True(
                await done.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken)
            );
        }

        Assert.Equal(0, overtaken);
    }

    [Fact]
    public async Task TheLastOfManyIsDoneAndNotOvertaken()
    {
        int wished = 0,
            seen = 0;
        bool overtaken = true;
        await using var wishes = new Wishes();
        wishes.Begin(
            (_, newer) =>
            {
                int now = Volatile.Read(ref wished);
                Thread.SpinWait(500);
                overtaken = newer.IsCancellationRequested;
                Volatile.Write(ref seen, now);
            },
            Assert.Null
        );
        for (int i = 1; i <= Many; i++)
        {
            Volatile.Write(ref wished, i);
            wishes.Wish();
        }

        Assert.True(SpinWait.SpinUntil(() => Volatile.Read(ref seen) == Many, 60_000));
        Assert.False(overtaken);
    }

    /// <summary>What comes after the end, as from a watcher of files, is no fault.</summary>
    [Fact]
    public async Task AWishThatComesTooLateIsNoFault()
    {
        var wishes = new Wishes();
        using var done = new SemaphoreSlim(0);
        wishes.Begin((_, _) => done.Release(), Assert.Null);
        wishes.Wish();
        await done.WaitAsync(TestContext.Current.CancellationToken);
        await wishes.DisposeAsync();
        wishes.Wish();
        Assert.True(wishes.AreOver);
    }

    /// <summary>Whatever a run throws is told, and what is wished for next is done: a page would else stay grey for good.</summary>
    [Fact]
    public async Task WhatFailsIsToldAndIsNotTheEnd()
    {
        List<Exception> told = [];
        int runs = 0;
        using var done = new SemaphoreSlim(0);
        await using var wishes = new Wishes();
        wishes.Begin(
            (_, _) =>
            {
                if (runs++ == 0)
                {
                    throw new InvalidOperationException("as a fault of the program does");
                }

                done.Release();
            },
            e =>
            {
                told.Add(e);
                done.Release();
            }
        );
        for (int i = 0; i < 3; i++)
        {
            wishes.Wish();
            Assert.True(await done.WaitAsync(5000, TestContext.Current.CancellationToken));
        }

        Assert.IsType<InvalidOperationException>(Assert.Single(told));
    }
}
