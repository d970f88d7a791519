using PlankFit.Pages.Sessions;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Whoever watches a folder goes on watching it.</summary>
public sealed class FolderWatchTests
{
    /// <summary>Whatever comes of one change, the next is told.</summary>
    [Fact]
    public void AFailureAtOneChangeIsNotTheEndOfWatching()
    {
        using var folder = new TempFolder();
        using var heard = new SemaphoreSlim(0);
        int told = 0;
        using var watch = new FolderWatch(
            folder.Path,
            _ =>
            {
                heard.Release();
                if (Interlocked.Increment(ref told) == 1)
                {
                    throw new InvalidOperationException("as a fault of the program does");
                }
            }
        );
        for (int i = 0; i < 5; i++)
        {
            while (heard.Wait(0, TestContext.Current.CancellationToken)) { }

            File.WriteAllText(folder.File($"offsets-{i}.csv"), "1");
            Assert.True(heard.Wait(5000, TestContext.Current.CancellationToken), $"change {i}");
            Thread.Sleep(30);
        }
    }
}
