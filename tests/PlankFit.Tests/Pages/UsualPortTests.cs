using System.Net;
using System.Net.Sockets;
using PlankFit.Pages.Serving;

namespace PlankFit.Tests.Pages;

/// <summary>A job is served at the same place every time, where a browser finds again what it kept.</summary>
public sealed class UsualPortTests
{
    [Fact]
    public void ItGoesByThePlaceAlone()
    {
        string[] places = [.. Enumerable.Range(0, 100).Select(i => $"/hulls/{i}/job.toml")];
        int[] ports = [.. places.Select(UsualPort.Of)];
        Assert.Equal(ports, places.Select(p => UsualPort.Of($"/hulls/../{p[1..]}")));
        Assert.All(ports, p => Assert.InRange(p, 20_000, 31_999));
        Assert.True(ports.Distinct().Count() > 90);
    }

    [Fact]
    public void OneThatAnotherHasIsNotFree()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        int port = ((IPEndPoint)other.LocalEndpoint).Port;
        Assert.False(UsualPort.IsFree(port, null));
        other.Stop();
        Assert.True(UsualPort.IsFree(port, IPAddress.Loopback));
    }
}
