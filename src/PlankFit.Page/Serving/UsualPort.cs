using System.Net;
using System.Net.Sockets;
using System.Text;
using PlankFit.Hashing;

namespace PlankFit.Pages.Serving;

/// <summary>
/// Where a hull is served unless another place is asked for: at the same one every time, since a browser keeps what waits to be sent by the address, port and all, and finds it at no
/// other.
/// </summary>
internal static class UsualPort
{
    /// <summary>Below those that systems give to whoever asks for any, and out of the way of what usually serves.</summary>
    private const int First = 20_000,
        Count = 12_000;

    /// <param name="place">The job's path, or that of the folder whose jobs are offered.</param>
    public static int Of(string place) =>
        First
        + (int)(
            Convert.ToUInt32(
                Sha256Hash.HexOf(Encoding.UTF8.GetBytes(Path.GetFullPath(place)))[..8],
                16
            ) % Count
        );

    /// <summary>Nobody else serves there.</summary>
    public static bool IsFree(int port, IPAddress? network)
    {
        try
        {
            foreach (
                IPAddress at in new[]
                {
                    IPAddress.Loopback,
                    network ?? IPAddress.Loopback,
                }.Distinct()
            )
            {
                using var listener = new TcpListener(at, port);
                listener.Start();
            }

            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
