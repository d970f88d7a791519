using PlankFit.Pages.Sessions;

namespace PlankFit.Tests.Pages;

/// <summary>However much of one kind is told, no other kind is lost to a page that is slow.</summary>
public sealed class ListenersTests
{
    [Fact]
    public async Task NoKindPushesAnotherOut()
    {
        var listeners = new Listeners();
        Listener listener = listeners.Join()!;
        listeners.Tell("laid");
        for (int i = 0; i < 1000; i++)
        {
            listeners.Tell("boards");
        }

        listeners.Tell("notes");
        List<string> heard = [];
        await foreach (string kind in listener.Heard(ServedJob.Stop))
        {
            heard.Add(kind);
            if (kind == "boards")
            {
                // What is read is told again where there is more of it.
                listeners.Tell(heard.Count < 4 ? "boards" : "laid");
            }

            if (heard.Count == 4)
            {
                break;
            }
        }

        Assert.Equal(["laid", "boards", "notes", "boards"], heard);
        listeners.Leave(listener);
    }
}
