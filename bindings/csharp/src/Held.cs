// SPDX-License-Identifier: Apache-2.0
namespace Rodtravel
{
    /// <summary>What every object of the library that was found can do.</summary>
    internal interface Held
    {
        string get(string path);
        string exact(string path);
        string json(string language);
        string say(string language);
        void Dispose();
    }
}
